"""A question of one's own in the place of one of a starter: seen and proved as it is typed."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any
from urllib.parse import urlencode

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.data_class import dataclass
from itembank.desk.pages.questions import AtBank, banks_of_desk, start_own
from itembank.desk.pages.write_question import Looked, look, shown_in_form, whole
from itembank.desk.replying.forms import action, text
from itembank.desk.replying.lesson_at import LESSON, Found, changed, find
from itembank.desk.replying.question_form import Typed, typed_in, typed_of
from itembank.desk.replying.replies import onward, page
from itembank.errors import ItembankError, NotFound
from itembank.planning.week.week_changes import Another

if TYPE_CHECKING:
    from itembank.desk.replying.desk import Desk
    from itembank.planning.week.week_plan import PlannedLesson
    from itembank.work.bank.banks_at_hand import BankAtHand


@dataclass(frozen=True, slots=True)
class Place:
    """The question of a starter that another is written in the place of."""

    found: Found
    planned: PlannedLesson
    address: str
    banks: tuple[BankAtHand, ...]
    """The department's own banks, those that its plans draw on first."""

    @property
    def number(self) -> int:
        """Return the question's number in the starter."""
        return self.planned.asked.index(self.address) + 1

    @property
    def where(self) -> str:
        """Return the address of this page."""
        return f"{self.found.where}/own"

    @property
    def desk(self) -> Desk:
        """Return the desk."""
        return self.found.desk

    def at(self, name: str) -> AtBank:
        """Return the bank of a name that a question is kept in; the first where none is named.

        Raises:
            NotFound: there is no such bank.
        """
        from itembank.work.bank.banks_at_hand import the_bank

        bank = the_bank(self.banks, name) if name else self.banks[0]
        return AtBank(self.desk, banks_of_desk(self.desk), bank)

    def used(self, bank: BankAtHand) -> bool:
        """Tell whether the class's plans draw on a bank."""
        own = self.found.planner.school_class.stated_sources.banks or ()
        return bank.folder in {folder.resolve() for folder in own}

    def printed(self) -> dict[str, Any] | None:
        """Return the question as the lesson's pack prints it; None where there is no pack."""
        pack = self.found.pack() or {"versions": [{"items": []}]}
        items = pack["versions"][0]["items"]
        return next((item for item in items if item["address"] == self.address), None)


def place_of(request: Request, address: str) -> Place:
    """Return the question of a starter at an address.

    Raises:
        ItembankError: the lesson is not planned, is over, or does not ask that.
    """
    found = find(request)
    planned = found.lesson.planned
    if planned is None or address not in planned.asked:
        raise NotFound("This starter does not ask that question any more.")
    if found.lesson.closed:
        raise ItembankError(
            f"This lesson {found.lesson.closed}, so its questions stay as they are."
        )
    own = [bank for bank in banks_of_desk(found.desk) if bank.own]
    return Place(found, planned, address, tuple(sorted(own, key=lambda bank: not bank.used)))


def write(request: Request) -> Response:
    """Show the form, empty but for topic and tier, or with the words of the question there is."""
    place = place_of(request, request.query_params.get("address", ""))
    if not place.banks:
        return page(request, "own_question", **_shown(place), at=None)
    at = place.at(request.query_params.get("bank", ""))
    item = place.printed()
    topic = place.found.planner.topic_of(place.address)
    if item is not None and request.query_params.get("words"):
        from itembank.work.bank.like_printed import fields_like

        typed = typed_of(topic, fields_like(item))
        return _form(request, place, at, typed, look(at.bank.folder, typed, None, None))
    tier = {"tier": item["tier"]} if item is not None else {}
    return _form(request, place, at, Typed(topic, plain=tier), Looked())


def _shown(place: Place) -> dict[str, Any]:
    return {
        "place": place,
        "group": place.found.planner.school_class,
        "lesson": place.found.lesson,
        "where": place.where,
        "back": f"{place.found.where}#q{place.number}",
        "now": place.printed(),
    }


def _form(
    request: Request, place: Place, at: AtBank, typed: Typed, looked: Looked, status: int = 200
) -> Response:
    return page(
        request,
        "own_question",
        status=status,
        **_shown(place),
        **at.shared,
        **shown_in_form(at.bank.folder),
        used=place.used(at.bank),
        typed=typed,
        item=None,
        looked=looked,
    )


def put(request: Request, form: FormData) -> Response:
    """Keep a question in the bank and ask it in the starter; or show what would come of it."""
    from itembank.work.bank.trying import save_trial

    place = place_of(request, text(form, "address"))
    at, typed, do = place.at(text(form, "bank")), typed_in(form), text(form, "do")
    looked = look(at.bank.folder, typed, None, None)
    if do == "try":
        return _form(request, place, at, typed, looked)
    whole(looked)
    trial = looked.trial
    if trial is None or not looked.sound:
        return _form(request, place, at, typed, looked, 400)
    if do != "keep" and trial.outcome.state != "proved":
        looked.fault(
            "",
            "Its key is not proved, so it goes into no starter. Say more of the mathematics "
            "behind its words, or only keep it in the bank.",
        )
        return _form(request, place, at, typed, looked, 400)
    try:
        saved = save_trial(trial)
    except ItembankError as error:  # somebody was quicker
        looked.fault("", str(error))
        return _form(request, place, at, typed, looked, 409)
    kept = f"It is kept as {saved.id} in {at.bank.title}"
    if do == "keep":
        return onward(at.url("of", saved.id), f"{kept}. The starter is as it was.")
    try:
        said = _ask(place, at, saved.id)
    except ItembankError as error:
        return onward(at.url("of", saved.id), f"{kept}, but the starter is as it was. {error}")
    return onward(f"{place.found.where}#q{place.number}", f"{said} {kept}, for other starters too.")


def _ask(place: Place, at: AtBank, id: str) -> str:
    """Have the starter ask a question of a bank, on which plans draw from then on.

    Raises:
        ItembankError: it cannot be asked.
    """
    from itembank.work.department.drawing_on import draw_on
    from itembank.work.department.made import read_kept

    group = place.found.planner.school_class
    # First: a plan may ask nothing of a bank that its class does not draw on.
    if not place.used(at.bank):
        draw_on(read_kept(place.desk.home), at.bank.folder, group.name)
    change = Another(place.found.name, place.address, f"{at.bank.name}:{id}")
    return changed(place.desk, place.found.week, (change,))


def preview(request: Request, form: FormData) -> Response:
    """Answer with a part of a page: what comes of what is typed so far."""
    place = place_of(request, text(form, "address"))
    at = place.at(text(form, "bank"))
    looked = look(at.bank.folder, typed_in(form), None, None)
    return page(request, "write_question_tried", **at.shared, looked=looked)


def start(request: Request, form: FormData) -> Response:
    """Start the department's own bank, and go on to write in it."""
    place = place_of(request, text(form, "address"))
    if not place.banks:
        start_own(place.desk)
    return onward(f"{place.where}?{urlencode({'address': place.address})}")


ROUTES = [
    Route(LESSON + "/own", write),
    Route(LESSON + "/own", action(put), methods=["POST"]),
    Route(LESSON + "/own/try", action(preview), methods=["POST"]),
    Route(LESSON + "/own/bank", action(start), methods=["POST"]),
]
