"""What stands at the head of a reading's leaf, written by key and saved by itself."""

import pytest
from PySide6.QtTest import QTest

from binder.study.readings import details, readings
from tests.ui.leaf_fixtures import log, session_on
from ui.writing.write import WritePage


@pytest.fixture
def writing(course_shelf, look, qtbot):
    """A writing page on a reading whose second place has a clarifying card."""
    session = session_on(course_shelf)
    binder, uid = log(course_shelf)
    details.clarify(binder, uid, 2, "hermit")
    page = WritePage(session, look)
    qtbot.addWidget(page)
    page.resize(524, 850)
    page.open(session.spot_of(uid))
    page.show()
    yield page, binder, uid
    session.deleteLater()


def field(page, name):
    return next(part.field for part in page.fields.described.parts if part.name == name)


def test_each_line_is_saved(writing):
    page, binder, uid = writing
    for name, words in (("topic", "work"), ("mood", "calm"), ("venue", "kitchen")):
        QTest.keyClicks(field(page, name), words)
    QTest.keyClicks(field(page, "significator"), "qc")
    assert page.save()
    view = readings.reading(binder, uid)
    assert (view.topic, view.mood, view.venue) == ("work", "calm", "kitchen")
    assert view.significator == "cups-13"
    page.open(page.spot)
    assert field(page, "significator").text() == "Queen of Cups"
    field(page, "significator").clear()
    assert page.save()
    assert readings.reading(binder, uid).significator == ""


def test_a_significator_that_is_no_card_is_said_and_nothing_is_lost(writing):
    page = writing[0]
    QTest.keyClicks(field(page, "significator"), "the landlord")
    assert not page.save()
    assert page.said.text()
    assert field(page, "significator").text() == "the landlord"
    field(page, "significator").clear()
    assert page.save()


def test_every_card_of_a_place_has_a_line_of_its_own(writing):
    page, binder, uid = writing
    shown = [part for part in page.fields.places.parts if not part.field.isHidden()]
    laid = readings.reading(binder, uid).laid
    assert len(shown) == len(laid) == 6
    QTest.keyClicks(shown[2].field, "too many hands")
    assert page.save()
    (told,) = [one for one in readings.reading(binder, uid).laid if one.note]
    assert (told.n, told.note) == (2, "too many hands")
    assert "beside it" in shown[2].label.text()


def test_an_example_slants_and_what_is_typed_stands_upright(writing):
    page, _, _ = writing
    mood = field(page, "mood")
    assert mood.font().italic()
    QTest.keyClicks(mood, "calm")
    assert not mood.font().italic()
    page.look.set_scale(1.5)
    assert not mood.font().italic()
    mood.clear()
    assert mood.font().italic()
