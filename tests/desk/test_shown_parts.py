"""The pages of all parts show each of them in every state: every branch of every one is met."""

import pytest
from jinja2 import Environment, nodes

from itembank.desk.replying import replies
from itembank.desk.replying.replies import TEMPLATES
from tests.desk.met import SHOWN

PARTS = "parts/"


def marked(tree, name, branches):
    """Have the branches of a template tell when they are taken; note them all in `branches`."""

    def mark(node, what):
        key = f"{name}, line {node.lineno}: {what}"
        branches.add(key)
        return nodes.Call(nodes.Name("met", "load"), [nodes.Const(key)], [], None, None)

    def told(body, node, what):
        body.insert(0, nodes.ExprStmt(mark(node, what), lineno=node.lineno))

    for macro in tree.find_all(nodes.Macro):
        told(macro.body, macro, f"macro {macro.name}")
    for each in list(tree.find_all(nodes.For)):
        told(each.body, each, "for")
    ifs = list(tree.find_all(nodes.If))
    within = {id(other) for each in ifs for other in each.elif_}  # what else holds for their first
    for each in ifs:
        told(each.body, each, "if")
        if id(each) not in within and (each.else_ or not each.elif_):
            told(each.else_, each, "if not")
    for each in list(tree.find_all(nodes.CondExpr)):
        call = mark(each, "inline if")
        call.args.append(each.expr1)
        each.expr1 = call
    return tree.set_environment(tree.environment)


@pytest.fixture
def branches(monkeypatch):
    """Return the branches of all parts, and those that were taken, filled as pages are made."""
    there, taken = set(), set()
    environment = replies.environment.__wrapped__()

    def met(key, value=""):
        taken.add(key)
        return value

    def parsed(source, name, filename):
        tree = Environment._parse(environment, source, name, filename)
        return marked(tree, name, there) if name and name.startswith(PARTS) else tree

    monkeypatch.setattr(environment, "_parse", parsed)
    environment.globals["met"] = met
    monkeypatch.setattr(replies, "environment", lambda: environment)
    for path in sorted((TEMPLATES / PARTS).glob("*.html")):
        environment.get_template(f"{PARTS}{path.name}")
    return there, taken


def test_every_part_is_shown_in_every_state(looking, branches):
    there, taken = branches
    assert len(there) > 100
    for address in SHOWN:
        assert looking.get(address).status_code == 200, address
    assert not there - taken, "\n".join(sorted(there - taken))


def test_no_page_links_to_it(looking):
    for address in ("/", "/set-up", "/class/8K", "/questions"):
        assert "shown-parts" not in looking.get(address).text


@pytest.mark.parametrize("address", ["/shown-parts/school/old", "/shown-parts/lessons/empty"])
def test_what_is_no_form_is_not_there(looking, address):
    assert looking.get(address).status_code == 404
