// Prints the text that pdf.js reads from a PDF, items joined as its own viewer joins them for copying:
//   node pdfjs_text.mjs FOLDER-OF-PDFJS-DIST FILE.pdf
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

console.log = () => {}; // it warns there of what only drawing needs

const [folder, file] = process.argv.slice(2);
const { getDocument } = await import(pathToFileURL(`${folder}/legacy/build/pdf.mjs`));
const document = await getDocument({
  data: new Uint8Array(readFileSync(file)),
  standardFontDataUrl: `${folder}/standard_fonts/`,
  verbosity: 0,
}).promise;
const pages = [];
for (let number = 1; number <= document.numPages; ++number) {
  const { items } = await (await document.getPage(number)).getTextContent();
  pages.push(items.map((item) => item.str + (item.hasEOL ? "\n" : "")).join(""));
}
process.stdout.write(pages.join("\f"));
