/** Why no pages can be made, in a sentence for whoever builds: no stack. */
export class BuildStopped extends Error {}
