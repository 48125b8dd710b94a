// The guide as a page, in headless Chromium: npm's axe-core (WCAG 2.1, A and AA, and best practice) finds
// nothing, light or dark, at a phone's and a desk's width; no line of it is wider than the screen; every
// place it names on itself is there; it asks for no file but itself and runs no script.
import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { check, end, need, quoin } from "./common.mjs";

const page = join(dirname(quoin), "..", "share", "doc", "quoin", "guide.html");
const text = readFileSync(page, "utf8");
const places = [...text.matchAll(/href="#([^"]+)"/g)].map(found => found[1]);
check(places.length > 15, `${places.length} places are named`);
for (const place of places) check(text.split(`id="${place}"`).length === 2, `#${place} is there, once`);
check(!/<script|(src|href)="(?!#|data:)/.test(text), "it stands by itself");
check((text.match(/<img alt="[^"]{40,}"/g) ?? []).length === (text.match(/<img/g) ?? []).length,
  "every picture is told in words");

async function look(tab, width, colorScheme) {
  await tab.goto(pathToFileURL(page).href);
  await tab.addScriptTag({ path: need.resolve("axe-core/axe.min.js") });
  const { violations } = await tab.evaluate(() => axe.run());
  check(violations.length === 0, `${colorScheme}, ${width} px: ` +
    violations.map(one => `${one.id}: ${one.help} (${one.nodes[0].html})`).join("; "));
  const wide = await tab.evaluate(() => document.documentElement.scrollWidth);
  check(wide <= width, `${colorScheme}: the page is ${wide} px wide at ${width}`);
  await tab.close();
}

if (existsSync("/usr/bin/chromium")) {
  const { chromium } = need("playwright-core");
  const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox",
    "--disable-gpu", "--disable-quic", "--disable-background-networking", "--disable-component-update",
    "--disable-sync"] });
  for (const colorScheme of ["light", "dark"])
    for (const width of [360, 1200])
      await look(await browser.newPage({ colorScheme, viewport: { width, height: 900 } }), width, colorScheme);
  await browser.close();
} else console.log("chromium is not here: the page is not looked at");
end("check_guide_page");
