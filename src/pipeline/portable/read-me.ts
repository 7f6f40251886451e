/** The note in the archive for a gallery's computer. */

export function readMe(title: string, base: string): string {
  return `${title}

TO READ AND LOOK
Open exhibit/index.html in a browser. Every page, picture and drawing is there.

TO TURN PLATES, ZOOM AND SEARCH
Browsers let pages that were opened from a folder run no modules and read no files,
so these need a small server on this computer. With Node.js 20.11 or newer:

    node serve.mjs

then open the address that it prints (http://127.0.0.1:8080${base}).
Another port: node serve.mjs 8081${base === '/' ? withPython : ''}

The server answers this computer alone and sends nothing anywhere.
Nothing in the exhibit asks for anything from the internet.
`;
}

const withPython = `

Without Node.js, with Python 3:

    python3 -m http.server 8080 --bind 127.0.0.1 --directory exhibit`;
