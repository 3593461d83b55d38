// Style sheets against the grammars of the CSS specifications: css-tree's own, and what W3C's extract of the
// specifications (@webref/css) knows besides. Takes folders, prints one JSON list of complaints.
//
// A value with var() is checked with the custom property's value in its place, for each value that the sheets of
// the folder give it (or those that are loaded before them, or those of the same folder in another theme): a browser would drop
// such a declaration in silence. What a template works out for a custom property is not known here.
import { readdirSync, readFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { fork, generate, lexer as known, parse, walk } from "css-tree";

const w3c = JSON.parse(readFileSync(new URL("../../node_modules/@webref/css/css.json", import.meta.url)));
const MARGIN_BOX = /^(?:top|bottom|left|right)-(?:left|center|right|top|middle|bottom)(?:-corner)?$/;
// CSS Paged Media 3: properties stand in the page context itself, beside the descriptors of @page.
const CONTEXTS = /^(?:page|(?:top|bottom|left|right)-.*)$/;

const properties = Object.fromEntries(
  w3c.properties
    .filter((each) => each.syntax && !known.getProperty(each.name))
    .map((each) => [each.name, each.syntax])
);
// CSS Generated Content for Paged Media 3, section 1: named strings are set with content lists and shown in `content`.
properties["string-set"] = "none | [ <custom-ident> [ <string> | <content()> | <counter()> | <attr()> ]+ ]#";
const types = {
  "content()": "content( [ text | before | after | first-letter | marker ]? )",
  "named-string()": "string( <custom-ident> , [ first | start | last | first-except ]? )",
};
properties.content =
  "normal | none | [ <content-replacement> | <content-list> | <named-string()>+ ] [ / [ <string> | <counter> ]+ ]?";
const { lexer } = fork({ properties, types });
const selectors = new Set(w3c.selectors.map((each) => each.name.replace(/\(.*/, "")));

// The desk loads the sheet of the site before its own, a booklet those of paper.
const LOADED_FIRST = { view: "site", book: "paper" };
const COMPUTED = "{{";
const complaints = [];
const folders = process.argv.slice(2).map((folder) => ({ folder, values: new Map(), sheets: [] }));
for (const each of folders) {
  for (const name of readdirSync(each.folder).sort()) {
    const file = join(each.folder, name);
    if (name.endsWith(".css")) {
      const onParseError = (error) => complaints.push(`${file}:${error.line}: ${error.message}`);
      // Words of ours stand in _("…") until their language is known; then they are a string.
      const text = readFileSync(file, "utf8").replace(/_\(("[^"]*")\)/g, "$1");
      const sheet = parse(text, { positions: true, onParseError });
      each.sheets.push([file, sheet]);
      walk(sheet, (node) => {
        if (node.type === "Declaration" && node.property.startsWith("--")) {
          set(each.values, node.property, generate(node.value).trim());
        }
      });
    } else if (name.endsWith(".html")) {
      const told = readFileSync(file, "utf8").matchAll(/(--[\w-]+)\s*:\s*([^;"]+)/g);
      for (const [, property, value] of told) set(each.values, property, value.trim());
    }
  }
}

function set(values, property, value) {
  values.set(property, (values.get(property) ?? new Set()).add(value));
}

function valuesOf(property, here) {
  const names = [basename(here.folder), LOADED_FIRST[basename(here.folder)]];
  const beside = folders.filter((each) => dirname(each.folder) === dirname(here.folder));
  const alike = [...beside, ...folders].filter((each) => names.includes(basename(each.folder)));
  return here.values.get(property) ?? alike.map((each) => each.values.get(property)).find(Boolean) ?? [];
}

function filled(text, here, depth = 0) {
  const found = /var\((--[\w-]+)(?:,([^()]*(?:\([^()]*\))?[^()]*))?\)/.exec(text);
  if (!found || depth > 8) return [text];
  const given = [...valuesOf(found[1], here), ...(found[2] ? [found[2]] : [])];
  return given.flatMap((value) => filled(text.replaceAll(found[0], ` ${value} `).trim(), here, depth + 1));
}

function complain(file, node, what) {
  complaints.push(`${file}:${node.loc.start.line}:${node.loc.start.column}: ${what}`);
}

function checkDeclaration(file, node, rule, atrule, here) {
  if (node.property.startsWith("--")) return;
  const written = generate(node.value);
  const texts = filled(written, here);
  if (!texts.length) complain(file, node, `${node.property}: ${written} uses a custom property that no sheet sets`);
  for (const text of texts.filter((each) => !each.includes(COMPUTED))) {
    const value = text === written ? node.value : parse(text, { context: "value" });
    const descriptor = !rule && known.atrules[atrule]?.descriptors?.[node.property];
    const told = descriptor
      ? lexer.matchAtruleDescriptor(atrule, node.property, value)
      : lexer.matchProperty(node.property, value);
    if (told.error) complain(file, node, `${node.property}: ${text} (${told.error.message.split("\n")[0]})`);
    if (atrule && !rule && !descriptor && !CONTEXTS.test(atrule)) {
      complain(file, node, `@${atrule} has no descriptor ${node.property}`);
    }
  }
}

for (const here of folders) for (const [file, sheet] of here.sheets) {
  walk(sheet, function (node) {
    if (node.type === "Declaration") {
      // Inside a condition of @supports it is a question.
      if (this.atrulePrelude === null) checkDeclaration(file, node, this.rule, this.atrule?.name, here);
    } else if (node.type === "Atrule" && !MARGIN_BOX.test(node.name)) {
      const told = lexer.matchAtrulePrelude(node.name, node.prelude);
      if (told.error) complain(file, node, `@${node.name}: ${told.error.message.split("\n")[0]}`);
    } else if (node.type === "PseudoClassSelector" || node.type === "PseudoElementSelector") {
      const name = (node.type === "PseudoClassSelector" ? ":" : "::") + node.name;
      if (!selectors.has(name)) complain(file, node, `${name} is no selector of the specifications`);
    } else if (node.type === "Raw" && !this.declaration) {
      complain(file, node, `cannot be read: ${node.value.slice(0, 60)}`);
    }
  });
}
console.log(JSON.stringify(complaints));
