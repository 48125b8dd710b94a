// What stands around the rows of the caseload's page: its looks, and the little script that sorts
// and filters them.
#pragma once

#include <string_view>

namespace quoin::caseload {

// Contrast of every pair is 4.5 to 1 or more in both schemes (WCAG 2.1, 1.4.3); what stands in
// colour stands in words too. Nothing is fetched and nothing is sent: the policy forbids it.
inline constexpr std::string_view html_head = R"html(<!DOCTYPE html>
<html lang="en-US">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy"
  content="default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="robots" content="noindex">
<title>Caseload</title>
<style>
:root { color-scheme: light dark; --ink: #20262b; --soft: #505b63; --paper: #fbfaf6; --card: #ffffff;
  --rule: #cfd3d1; --must: #96331a; --link: #235a7d; --well: #2c664f; }
@media (prefers-color-scheme: dark) { :root { --ink: #e6e8e4; --soft: #b0b9b8; --paper: #181b1e;
  --card: #20252a; --rule: #434b51; --must: #f2a58c; --link: #9ccbea; --well: #8fd0b3; } }
*, ::before { box-sizing: border-box; }
html { scroll-padding-top: 1rem; }
body { margin: 0; color: var(--ink); background: var(--paper); font: 1rem/1.5 "Open Sans", system-ui,
  sans-serif; }
main { max-width: 76rem; margin: 0 auto; padding: 1.75rem 1rem 4rem; }
h1, h2, h3 { line-height: 1.25; font-weight: 650; text-wrap: balance; }
h1 { margin: 0; font-size: 1.7rem; }
h2 { margin: 2.5rem 0 .6rem; font-size: 1.2rem; }
h3 { margin: 1.2rem 0 .3rem; font-size: 1rem; }
p { margin: .3rem 0; max-width: 68ch; }
a { color: var(--link); }
:focus-visible { outline: 3px solid var(--link); outline-offset: 2px; }
.soft { color: var(--soft); }
.caution { padding: .5rem .8rem; border-left: 4px solid var(--must); background: var(--card);
  overflow-wrap: anywhere; }
.sums { display: flex; flex-wrap: wrap; gap: .25rem 2rem; margin: .9rem 0 0; padding: 0;
  list-style: none; }
.sums b { font-size: 1.35rem; font-variant-numeric: tabular-nums; }
.tools { display: flex; flex-wrap: wrap; gap: .6rem 1.2rem; align-items: end; margin: .8rem 0; }
.tools[hidden] { display: none; }
.tools label { display: grid; gap: .1rem; font-size: .9rem; }
.tools .tick { display: flex; gap: .45rem; align-items: center; min-height: 2.4rem; }
input[type=search], select { font: inherit; color: inherit; background: var(--card); min-height: 2.4rem;
  padding: .2rem .5rem; border: 1px solid var(--soft); border-radius: 4px; }
.wide { overflow-x: auto; background: var(--card); border: 1px solid var(--rule); border-radius: 6px; }
table { border-collapse: collapse; width: 100%; font-size: .93rem; }
th, td { padding: .4rem .7rem; text-align: left; vertical-align: top;
  border-bottom: 1px solid var(--rule); }
tbody tr:last-child > * { border-bottom: 0; }
thead th { white-space: nowrap; font-weight: 600; }
tbody th { font-weight: 600; min-width: 8rem; overflow-wrap: anywhere; }
.n { text-align: right; font-variant-numeric: tabular-nums; white-space: nowrap; }
.why { min-width: 11rem; }
#cohort tbody th { min-width: 15rem; font-weight: 400; }
.line { min-width: 14rem; overflow-wrap: anywhere; }
th button { all: unset; cursor: pointer; }
th button:focus-visible { outline: 3px solid var(--link); outline-offset: 2px; }
th button::after { content: "\2195"; padding-left: .3em; color: var(--soft); }
th[aria-sort=ascending] button::after { content: "\2191"; color: inherit; }
th[aria-sort=descending] button::after { content: "\2193"; color: inherit; }
.must { color: var(--must); font-weight: 650; }
.ready { color: var(--well); font-weight: 650; }
.sheet { margin-top: 2.5rem; padding: 1.2rem 1.2rem 1.4rem; background: var(--card);
  border: 1px solid var(--rule); border-radius: 6px; }
.sheet h2 { margin-top: 0; overflow-wrap: anywhere; }
.sheet:target { border-color: var(--link); border-width: 2px; }
.sheet ol { margin: .3rem 0; padding-left: 1.6rem; }
.sheet li { margin: .5rem 0; max-width: 72ch; overflow-wrap: anywhere; }
.sheet q { display: block; color: var(--soft); quotes: none; font-size: .93rem; }
@media print { @page { margin: 1.6cm; } html { color-scheme: light; }
  :root { --ink: #000; --soft: #333; --paper: #fff; --card: #fff; --rule: #999; --must: #000;
    --link: #000; --well: #000; }
  body { font-size: 9.5pt; background: none; } main { max-width: none; padding: 0; }
  .tools, .back { display: none; } .wide { overflow: visible; border: 0; } table { font-size: 8pt; }
  th, td { padding: 2pt 4pt; } .why, .line, tbody th { min-width: 0; } tr, .sheet li { break-inside: avoid; }
  a { text-decoration: none; } th button::after { content: ""; }
  .sheet { break-before: page; margin: 0; padding: 0; border: 0; }
  main:has(> .sheet:target) > :not(:target) { display: none; }
  main:has(> .sheet:target) > .sheet { break-before: auto; } }
</style>
</head>
<body>
<main>
)html";

// Without it all rows are there, who needs help first at the top.
inline constexpr std::string_view html_script = R"html(<script>
"use strict";
const table = document.getElementById("students");
const rows = [...table.tBodies[0].rows];
const tools = document.getElementById("tools"), told = document.getElementById("told");
const words = document.getElementById("words"), stage = document.getElementById("stage");
const due = document.getElementById("due");
function show() {
  const wanted = words.value.trim().toLowerCase().split(/\s+/);
  let shown = 0;
  for (const row of rows) {
    const text = row.textContent.toLowerCase();
    row.hidden = !(wanted.every(word => text.includes(word)) &&
      (!stage.value || row.dataset.stage === stage.value) && (!due.checked || row.dataset.due === "1"));
    if (!row.hidden) ++shown;
  }
  told.textContent = `${shown} of ${rows.length} shown`;
}
function sortBy(head) {
  const up = head.getAttribute("aria-sort") === "ascending" ? -1 : 1;
  const at = head.cellIndex;
  const value = row => row.cells[at].dataset.v ?? row.cells[at].textContent;
  const compare = (a, b) => isNaN(a) || isNaN(b) || a === "" || b === "" ?
    String(a).localeCompare(String(b), "en") : a - b;
  for (const other of table.tHead.rows[0].cells) other.removeAttribute("aria-sort");
  head.setAttribute("aria-sort", up > 0 ? "ascending" : "descending");
  rows.sort((a, b) => up * compare(value(a), value(b)));
  table.tBodies[0].append(...rows);
}
for (const head of table.tHead.rows[0].cells) {
  const button = document.createElement("button");
  button.type = "button";
  button.append(...head.childNodes);
  button.addEventListener("click", () => sortBy(head));
  head.append(button);
}
for (const value of new Set(rows.map(row => row.dataset.stage)))
  if (value) stage.add(new Option(value, value));
for (const control of [words, stage, due]) control.addEventListener("input", show);
tools.hidden = false;
show();
</script>
)html";

}
