// The result slip: seat, score, how each question went, and a check that a changed figure breaks.
const SEAT = /^(?=.*[0-9])[A-Za-z0-9][A-Za-z0-9-]{0,7}$/;
const LOOKS_LIKE_DATE = /^[0-9]{1,4}-[0-9]{1,2}-[0-9]{1,4}$/;
const OUTCOMES = { right: "r", not_yet: "n", teacher: "t", empty: "e" };

function isSeat(text) { return SEAT.test(text) && !LOOKS_LIKE_DATE.test(text); }
function slipText(key, seat, version, score, outOf, outcomes) {
  const said = [seat.toUpperCase(), ...(version ? [version] : []), `${score}/${outOf}`, outcomes].join(" ");
  return `${said} ${checkSigns(keyedCheck(key, said), 8)}`;
}
