"""Somebody with nothing: the desk opens, and the demo school is one press away."""

import pytest

from itembank.work.usual_home import demo_home, home_near, usual_home
from tests.desk.conftest import visitor


@pytest.fixture(autouse=True)
def nobody(tmp_path, monkeypatch):
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("USERPROFILE", str(tmp_path))
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_the_demo_school_is_one_press_away(nobody):
    desk = visitor(usual_home())
    assert "Look round" in desk.get("/").text
    assert not list(nobody.iterdir())  # looking makes nothing
    page = desk.post("/welcome/demo")
    assert page.status_code == 200
    assert "Larkhythe School" in page.text
    assert "8K" in page.text
    assert home_near(None) == demo_home() == nobody / "itembank" / "demo" / "larkhythe"


def test_what_a_person_changed_in_the_demo_is_there_again():
    noted = demo_home() / "department.toml"
    noted.write_text(noted.read_text().replace("Larkhythe School", "Larkhythe Academy"))
    assert "Larkhythe Academy" in visitor(usual_home()).post("/welcome/demo").text


def test_a_folder_that_is_something_else_is_left_alone(nobody):
    other = nobody / "itembank" / "demo"
    other.mkdir(parents=True)
    (other / "mine.txt").write_text("mine")
    answer = visitor(usual_home()).post("/welcome/demo")
    assert answer.status_code == 400
    assert "is there already" in answer.text
    assert [path.name for path in other.iterdir()] == ["mine.txt"]
