// SPDX-License-Identifier: MIT
#include "render/html_style.h"

#include <fmt/core.h>

namespace strikeoff::html {
namespace {

constexpr const char* rules = R"(
body { font: 11pt/1.35 sans-serif; color: #000; background: #fff; margin: 0 auto; max-width: 190mm;
  padding: 0 4mm; overflow-wrap: break-word; }
h1 { font-size: 20pt; line-height: 1.15; margin: 4mm 0; }
h2 { font-size: 16pt; margin: 6mm 0 2mm; border-bottom: 0.7mm solid #000; }
h3 { font-size: 12pt; margin: 4mm 0 1mm; }
h1, h2, h3 { break-after: avoid; }
p { margin: 1.2mm 0; orphans: 2; widows: 2; }
p.under { margin-left: 8mm; }
p.item { margin-left: 5mm; }
p.item::before { content: "\2013  "; }
nav ul { list-style: none; padding: 0; margin: 2mm 0; }
nav li { display: inline-block; margin: 0 4mm 1mm 0; }
nav a { color: #000; }
table { border-collapse: collapse; width: 100%; margin: 2mm 0 3mm; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th, td { border-bottom: 0.2mm solid #888; padding: 0.8mm 1.5mm; text-align: left;
  vertical-align: top; font-weight: normal; unicode-bidi: isolate; }
thead th { border-bottom: 0.4mm solid #000; font-weight: bold; vertical-align: bottom;
  overflow-wrap: normal; }
tbody th { font-weight: bold; }
.right { text-align: right; font-variant-numeric: tabular-nums; }
.narrow { white-space: nowrap; }
.tick { width: 8mm; }
.box { display: inline-block; width: 4.2mm; height: 4.2mm; border: 0.4mm solid #000; }
#card td, #card tbody th { font-size: 14pt; padding: 2.2mm 1.5mm; }
#card .box { width: 7mm; height: 7mm; }
figure { margin: 4mm 0; border: 0.2mm solid #888; overflow: hidden; }
figure svg { display: block; width: 100%; height: auto; }
@media print {
  body { max-width: none; padding: 0; font-size: 10pt; line-height: 1.28; }
  nav { display: none; }
  #cut, #build, #card, #clock, #finish { break-before: page; }
  section > h2 { margin-top: 0; }
  figure { page: drawing; margin: 0; border: 0; break-inside: avoid; }
  figure svg { width: auto; }
}
)";

}  // namespace

std::string style(Units units) {
  const bool us = units == Units::us;
  // A millimetre less than the paper, for a page that is full by a hair makes an empty one.
  const char* width = us ? "279.4mm" : "297mm";
  const char* height = us ? "214.9mm" : "209mm";
  const char* paper = us ? "letter" : "A4";
  return fmt::format(
      "<style>{0}@page {{ size: {1} portrait; margin: 12mm; }}\n@page drawing {{ size: {1} "
      "landscape; margin: 0; }}\n@media print {{ figure {{ width: {2}; height: {3}; }} }}\n"
      "</style>\n",
      rules, paper, width, height);
}

}  // namespace strikeoff::html
