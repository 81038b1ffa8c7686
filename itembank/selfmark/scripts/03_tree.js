// Trees of notation: as in itembank/notation/tree, with the same names and fields.
const NODES = TABLES.nodes;
const FIELDS = fieldOfNodes("fields"), RANK = fieldOfNodes("rank");
function fieldOfNodes(field) {
  const found = {};
  for (const name of Object.keys(NODES)) found[name] = NODES[name][field];
  return found;
}
class Tree {
  // A text that two trees share exactly where they are equal.
  get id() {
    if (this._id === undefined) {
      this._id = `${this.k}(${FIELDS[this.k].map((field) => idOf(this[field])).join(",")})`;
    }
    return this._id;
  }
}
function idOf(value) {
  if (value instanceof Tree) return value.id;
  if (Array.isArray(value)) return `[${value.map(idOf).join(",")}]`;
  return typeof value === "string" ? JSON.stringify(value) : String(value);
}
function make(k, ...values) {
  const node = new Tree();
  node.k = k;
  // What is left out is the brackets of a list, which has none then.
  FIELDS[k].forEach((field, i) => { node[field] = values[i] === undefined ? false : values[i]; });
  return node;
}
const Int = (n) => make("Int", BigInt(n));
const Dec = (whole, places, recurring) => make("Dec", whole, places || "", recurring || "");
const Sym = (name) => make("Sym", name);
const Blank = () => make("Blank");
const Label = (text) => make("Label", text);
const Frac = (num, den) => make("Frac", num, den);
const Mixed = (whole, num, den) => make("Mixed", BigInt(whole), BigInt(num), BigInt(den));
const Neg = (of) => make("Neg", of);
const Percent = (of) => make("Percent", of);
const Money = (amount, sign) => make("Money", amount, sign || "£");
const Quantity = (amount, unit) => make("Quantity", amount, unit);
const MixedUnits = (list) => make("MixedUnits", list);
const ClockTime = (hour, minute, half) => make("ClockTime", hour, minute, half || "");
const Power = (base, exponent) => make("Power", base, exponent);
const Root = (of, index) => make("Root", of, index === undefined ? 2 : index);
const Trig = (name, of, inverse) => make("Trig", name, of, inverse || false);
const Bracket = (of) => make("Bracket", of);
const Juxt = (factors) => make("Juxt", factors);
const Sum = (first, rest) => make("Sum", first, rest);
const Product = (first, rest) => make("Product", first, rest);
const Ratio = (list) => make("Ratio", list);
const Relation = (first, rest) => make("Relation", first, rest);
const Listing = (list, brackets) => make("Listing", list, brackets || false);
const Either = (list) => make("Either", list);

// From the page's data: [kind, field, …]; whole numbers are texts, however long.
function restored(data) {
  const [k, ...values] = data, whole = k === "Int" || k === "Mixed";
  return make(k, ...values.map(whole ? BigInt : restoredField));
}
function restoredField(value) {
  if (!Array.isArray(value)) return value;
  return NODES[value[0]] ? restored(value) : value.map(restoredField);
}

const is = (node, ...kinds) => kinds.indexOf(node.k) >= 0;
const eq = (a, b) => a === b || a.id === b.id;
const sidesOf = (node) => [node.first, ...node.rest.map(([, side]) => side)];
const opsOf = (node) => node.rest.map(([op]) => op);

// What a field holds below: a tree, trees, or pairs of a sign and a tree.
function treesIn(value) {
  if (value instanceof Tree) return [value];
  return Array.isArray(value) ? [].concat(...value.map(treesIn)) : [];
}
function children(node) {
  if (node._children === undefined) node._children = treesIn(FIELDS[node.k].map((field) => node[field]));
  return node._children;
}
function rebuilt(node, below) {
  const left = below.slice();
  const filled = (value) => {
    if (value instanceof Tree) return left.shift();
    return Array.isArray(value) ? value.map(filled) : value;
  };
  return make(node.k, ...FIELDS[node.k].map((field) => filled(node[field])));
}
const withParts = (node, change) => (children(node).length ? rebuilt(node, children(node).map(change)) : node);
function walk(node) {
  const found = [];
  (function visit(one) { found.push(one); children(one).forEach(visit); })(node);
  return found;
}
function symbols(node) {
  if (node._symbols === undefined) {
    const found = new Set();
    for (const one of walk(node)) {
      if (one.k === "Sym") found.add(one.name);
      else if (one.k === "Blank") found.add("□");
    }
    node._symbols = found;
  }
  return node._symbols;
}
const hasLetters = (node) => symbols(node).size > 0;
const PI = "π"; // a number, though it is written with a letter
const unknownLetters = (node) => new Set(Array.from(symbols(node)).filter((name) => name !== PI));
const isOperation = (node) => NODES[node.k].operation;
const isExpression = (node) => RANK[node.k] <= 7;
const frame = (node) => withParts(node, () => Blank());
function replaced(node, others) {
  if (others.has(node.id)) return others.get(node.id);
  const below = children(node), changed = below.map((part) => replaced(part, others));
  if (changed.every((part, i) => part === below[i])) return node;
  if (node.k === "Juxt") {
    const [first, ...rest] = changed.map((part) => (is(part, "Neg", "Sum") ? Bracket(part) : part));
    return Product(first, rest.map((part) => ["×", part]));
  }
  return rebuilt(node, changed);
}
const hasAny = (node, ...kinds) => walk(node).some((part) => is(part, ...kinds));
function letterEquation(node) {
  return node.k === "Relation" && node.rest.length === 1 && node.rest[0][0] === "=" && node.first.k === "Sym";
}
function timesIn(node) {
  let n = 0, any = false;
  if (node.first.k === "ClockTime") { n = 1; any = true; }
  for (const [op, term] of node.rest) {
    if (term.k === "ClockTime") { n += op === "+" ? 1 : -1; any = true; }
  }
  return any ? n : null;
}
function isTime(node) {
  if (node.k === "Bracket") return isTime(node.of);
  return node.k === "ClockTime" || (node.k === "Sum" && timesIn(node) === 1);
}
