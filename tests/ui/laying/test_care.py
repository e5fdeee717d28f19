"""What to mind of a question is said beside it while it is typed."""

import pytest
from PySide6.QtWidgets import QApplication

from binder.study.readings.cautions import AREAS

WORDS = {area.name: area.sentence for area in AREAS}


def test_danger_is_told_while_the_question_is_typed(desk):
    care = desk.head.care
    desk.type("He hit ")
    assert not care.isVisible()
    desk.type("me last night")
    assert care.isVisible()
    assert care.text() == WORDS["danger"]
    assert care.accessibleName() == "Caution"
    assert desk.head.question.accessibleDescription() == WORDS["danger"]


def test_it_goes_when_the_question_becomes_another(desk):
    desk.type("Should I remortgage?")
    assert desk.head.care.text() == WORDS["money"]
    desk.head.question.setPlainText("Should I repaint?")
    assert not desk.head.care.isVisible()
    assert desk.head.question.accessibleDescription() == ""


def test_a_topic_is_weighed_with_the_question(desk):
    desk.type("What do I overlook?")
    desk.head.topic.setText("law")
    assert desk.head.care.text() == WORDS["law"]


def test_the_gravest_takes_the_place_of_another(desk):
    desk.type("Should I divorce him")
    assert desk.head.care.text() == WORDS["law"]
    desk.type(", I am scared of him")
    assert desk.head.care.text() == WORDS["danger"]


def test_a_caution_is_no_fault_and_bars_nothing(desk):
    desk.type("I want to die")
    assert not desk.head.care.wrong
    desk.entry.left.to_cards()
    desk.type("3w, hermit r, qc")
    desk.entry.keep()
    assert desk.reading().question == "I want to die"


@pytest.mark.parametrize("scale", [1.0, 1.5])
@pytest.mark.parametrize("name", ["self-harm", "health"])
def test_no_word_of_it_is_cut_off(desk, look, scale, name):
    desk.host.resize(1100, 700)
    look.set_scale(scale)
    desk.type({"self-harm": "I want to die", "health": "Is it cancer?"}[name])
    QApplication.processEvents()
    care = desk.head.care
    assert care.text() == WORDS[name]
    assert care.height() >= care.heightForWidth(care.width())
    assert care.width() <= desk.head.width()
