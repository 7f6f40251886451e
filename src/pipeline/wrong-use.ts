/** Said wrongly on the command line: exit code 2 and the help, no stack. */
export class WrongUse extends Error {}
