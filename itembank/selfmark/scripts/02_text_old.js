// Patterns in browsers that cannot look behind (on an iPad, before 2023): a small matcher of its
// own for the patterns that do. It tries what a pattern says in the order in which it says it, as
// every browser does, and knows only what the marker's patterns are written with.
const LOOKS_BACK = canLookBack();
function canLookBack() {
  try { return Boolean(new RegExp("(?<=a)b", "u")); } catch (error) { return false; }
}
function pattern(source, flags) {
  if (LOOKS_BACK || !/\(\?<[=!]/.test(source)) return new RegExp(source, flags);
  return new OldPattern(source, flags);
}

class OldPattern {
  constructor(source, flags) {
    this.flags = flags;
    this.lastIndex = 0;
    this.names = [];
    this.count = 0;
    const parser = { source, at: 0, owner: this, fold: flags.indexOf("i") >= 0, wide: flags.indexOf("u") >= 0 };
    this.step = alternatives(parser).step;
  }
  exec(text) {
    const sticky = this.flags.indexOf("y") >= 0, moves = sticky || this.flags.indexOf("g") >= 0;
    for (let at = moves ? this.lastIndex : 0; at <= text.length; at++) {
      const groups = new Array(this.count + 1).fill(undefined);
      const end = this.step(text, at, groups, (i) => i);
      if (end >= 0) {
        const found = groups.map((pair) => (pair ? text.slice(pair[0], pair[1]) : undefined));
        found[0] = text.slice(at, end);
        found.index = at;
        found.groups = this.names.length ? {} : undefined;
        for (const [name, n] of this.names) found.groups[name] = found[n];
        if (moves) this.lastIndex = end;
        return found;
      }
      if (sticky) break;
    }
    if (moves) this.lastIndex = 0;
    return null;
  }
}
// A part of a pattern is a step, which gets where it is and what comes next and returns the end or
// -1, and a width: how many characters it takes, the same in every way it can match, or -1.
function alternatives(parser) {
  const ways = [sequence(parser)];
  while (parser.source[parser.at] === "|") { parser.at++; ways.push(sequence(parser)); }
  if (ways.length === 1) return ways[0];
  const step = (text, at, groups, next) => {
    for (const way of ways) {
      const kept = groups.slice(), end = way.step(text, at, groups, next);
      if (end >= 0) return end;
      kept.forEach((pair, n) => { groups[n] = pair; });
    }
    return -1;
  };
  return { step, width: ways.every((way) => way.width === ways[0].width) ? ways[0].width : -1, ways };
}
function sequence(parser) {
  const list = [];
  while (parser.at < parser.source.length && parser.source[parser.at] !== "|" && parser.source[parser.at] !== ")") {
    list.push(repeated(parser, atom(parser)));
  }
  const step = list.reduceRight(
    (rest, part) => (text, at, groups, next) => part.step(text, at, groups, (i) => rest(text, i, groups, next)),
    (text, at, groups, next) => next(at));
  const width = list.reduce((sum, part) => (sum < 0 || part.width < 0 ? -1 : sum + part.width), 0);
  return { step, width };
}
function repeated(parser, part) {
  const found = /^(?:([*+?])|\{(\d+)(?:(,)(\d*))?\})(\?)?/.exec(parser.source.slice(parser.at));
  if (!found) return part;
  parser.at += found[0].length;
  const least = found[1] ? (found[1] === "+" ? 1 : 0) : Number(found[2]);
  const most = found[1] ? (found[1] === "?" ? 1 : Infinity) : found[3] ? (found[4] ? Number(found[4]) : Infinity) : least;
  const lazy = Boolean(found[5]);
  const step = (text, start, groups, next) => {
    const go = (at, n) => {
      const more = () => (n < most
        ? part.step(text, at, groups, (i) => (i === at && n >= least ? -1 : go(i, n + 1))) : -1);
      if (n < least) return more();
      if (lazy) {
        const end = next(at);
        return end >= 0 ? end : more();
      }
      const kept = groups.slice(), end = more();
      if (end >= 0) return end;
      kept.forEach((pair, k) => { groups[k] = pair; });
      return next(at);
    };
    return go(start, 0);
  };
  return { step, width: least === most && part.width >= 0 ? least * part.width : -1 };
}
function atom(parser) {
  const { source } = parser, char = source[parser.at];
  if (char === "(") return groupOf(parser);
  if (char === "^") { parser.at++; return { step: (text, at, groups, next) => (at === 0 ? next(at) : -1), width: 0 }; }
  if (char === "$") { parser.at++; return { step: (text, at, groups, next) => (at === text.length ? next(at) : -1), width: 0 }; }
  if (char === "\\" && source[parser.at + 1] === "b") {
    parser.at += 2;
    const word = (text, i) => i >= 0 && i < text.length && /\w/.test(text[i]);
    return { step: (text, at, groups, next) => (word(text, at - 1) !== word(text, at) ? next(at) : -1), width: 0 };
  }
  const end = charEnd(source, parser.at), piece = source.slice(parser.at, end);
  parser.at = end;
  const one = new RegExp(`^${piece}$`, parser.flagsOfOne || (parser.flagsOfOne = (parser.fold ? "i" : "") + (parser.wide ? "u" : "")));
  const known = new Map();
  const step = (text, at, groups, next) => {
    if (at >= text.length) return -1;
    let found = text[at];
    if (parser.wide && found >= "\ud800" && found <= "\udfff") found = String.fromCodePoint(text.codePointAt(at));
    if (!known.has(found)) known.set(found, one.test(found));
    return known.get(found) ? next(at + found.length) : -1;
  };
  return { step, width: 1 };
}
// Where one character, class or escape of a pattern ends.
function charEnd(source, at) {
  if (source[at] === "[") {
    for (at++; source[at] !== "]"; at++) if (source[at] === "\\") at++;
    return at + 1;
  }
  if (source[at] !== "\\") return at + (source.codePointAt(at) > 0xffff ? 2 : 1);
  const longer = /^\\(?:u\{[0-9a-f]+\}|u[0-9a-f]{4}|x[0-9a-f]{2}|[pP]\{\w+\})/.exec(source.slice(at));
  return at + (longer ? longer[0].length : 2);
}
function groupOf(parser) {
  const { source, owner } = parser;
  const head = /^\((?:\?(?:(:)|(<?[=!])|<(\w+)>))?/.exec(source.slice(parser.at));
  parser.at += head[0].length;
  const sees = head[2];
  const number_ = head[1] || sees ? 0 : ++owner.count;
  if (head[3]) owner.names.push([head[3], number_]);
  const inside = alternatives(parser);
  parser.at++;
  if (sees) return { step: sees[0] === "<" ? behind(inside, sees[1] === "=") : ahead(inside, sees === "="), width: 0 };
  if (!number_) return inside;
  const step = (text, at, groups, next) => inside.step(text, at, groups, (i) => {
    const before = groups[number_];
    groups[number_] = [at, i];
    const end = next(i);
    if (end < 0) groups[number_] = before;
    return end;
  });
  return { step, width: inside.width };
}
function ahead(inside, wanted) {
  return (text, at, groups, next) => (inside.step(text, at, groups, (i) => i) >= 0) === wanted ? next(at) : -1;
}
function behind(inside, wanted) {
  const ways = inside.ways || [inside];
  return (text, at, groups, next) => {
    const holds_ = ways.some((way) => {
      let start = at;
      for (let n = 0; n < way.width && start >= 0; n++) start -= start > 1 && /[\udc00-\udfff]/.test(text[start - 1]) ? 2 : 1;
      return way.width >= 0 && start >= 0 && way.step(text, start, groups, (i) => (i === at ? i : -1)) >= 0;
    });
    return holds_ === wanted ? next(at) : -1;
  };
}
