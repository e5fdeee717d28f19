"""A card has one name: that of the deck in use, its standard title small below it."""

from datetime import date

import pytest

from binder.cards.titles import TRADITIONS
from binder.paper.leaves.card import printed
from binder.paper.leaves.gathering import Gathering
from binder.store.clock import OtherDay
from binder.study.decks import decks
from binder.study.leaves import leaves, tabs
from binder.study.overview import finding
from binder.study.readings.naming import Names
from ui.kit.page.facts import Facts
from ui.kit.page.heads import Heading
from ui.kit.prose.prose import Prose
from ui.leaves.card.card import CardPage
from ui.leaves.contents.contents import ContentsPage
from ui.session.session import Session
from ui.session.trail import Show, Spot

COINS = next(deck for deck in TRADITIONS if deck.suits == ("Batons", "Cups", "Swords", "Coins"))


@pytest.fixture
def session(course_shelf):
    decks.register(course_shelf.binders[0], "A deck that says Coins", COINS, favourite=True)
    made = Session(course_shelf, OtherDay(date(2026, 11, 25)))
    yield made
    made.deleteLater()


@pytest.fixture
def page(session, look, lay):
    made = CardPage(session, look)

    def opened(key):
        lay(made, session.spot_of(session.shelf.card_leaf(key)[1]))
        made.finish()
        return made

    return opened


def said(page, kind):
    return [part.accessibleName() for part in page.findChildren(kind)]


def test_the_leaf_has_the_decks_name_and_the_standard_title_below(page):
    leaf = page("pentacles-02")
    assert leaf.heading.accessibleName() == "Two of Coins"
    assert leaf.heading.accessibleDescription() == "Coins, Minor Arcana, Two of Pentacles"
    related = next(p for p in leaf.findChildren(Prose) if p.accessibleName() == "Related cards")
    assert "Ace of Coins" in related.document().toPlainText()
    assert "Pentacles" not in related.document().toPlainText()


def test_a_card_both_call_alike_has_nothing_below(page):
    leaf = page("cups-02")
    assert leaf.heading.accessibleName() == "Two of Cups"
    assert leaf.heading.accessibleDescription() == "Cups, Minor Arcana"


@pytest.mark.parametrize(
    ("key", "roman", "number"), [("major-08", "XI", "11 (1 + 1 = 2)"), ("major-11", "VIII", "8")]
)
def test_the_strip_follows_the_numbering_of_the_deck(page, key, roman, number):
    leaf = page(key)
    assert leaf.heading.accessibleDescription().startswith(f"{roman}, Major Arcana")
    assert f"Number: {number}" in leaf.findChild(Facts).accessibleName().split("; ")


def test_a_leaf_its_owner_renamed_keeps_that_name(session, page):
    binder, uid = session.shelf.card_leaf("pentacles-02")
    leaves.write(binder, uid, title="The juggler", text="")
    session.forget()
    leaf = page("pentacles-02")
    assert leaf.findChild(Heading).accessibleName() == "The juggler"
    assert leaf.heading.accessibleDescription() == "Coins, Minor Arcana"


def test_contents_and_the_leaf_for_those_who_hear_it(session, look, lay):
    minors = next(t for t in tabs.tabs(session.shelf.binders[0]) if t.name == "Minor Arcana")
    binder = session.shelf.binders[0]
    made = lay(ContentsPage(session, look), Spot(Show.CONTENTS, binder.uid, minors.uid))
    rows = [made.model.data(made.model.index(n, 0)) for n in range(made.model.rowCount())]
    assert "Two of Coins" in rows
    assert "Coins, 0 of 14 written" in rows
    assert not [row for row in rows if "Pentacles" in row]


def test_what_is_found_has_the_decks_name_and_the_words_that_were_found(session):
    hit = finding.find_all(session.shelf, "pentacles").groups[0].hits[0]
    assert finding.plain_line(hit.title).endswith(" of Pentacles)")
    assert " of Coins (" in hit.title


def test_on_paper_too(session):
    binder, uid = session.shelf.card_leaf("pentacles-02")
    minors = next(t for t in tabs.tabs(binder) if t.name == "Minor Arcana")
    leaf = printed(Gathering(session.shelf, binder, minors), leaves.leaf(binder, uid))
    assert (leaf.title, leaf.over, leaf.under) == (
        "Two of Coins", "Coins, Minor Arcana", "Two of Pentacles",
    )  # fmt: skip
    assert ("Suit", "Coins") in leaf.facts
    assert ">Coins</text>" in leaf.svg
    assert "Pentacles" not in leaf.svg


def test_the_drawn_face_bears_the_decks_name(page):
    faces = page("pentacles-02").top.faces.faces
    assert faces[0].accessibleName() == "The face of Two of Coins"


def test_what_is_counted_names_them_alike(session):
    assert Names(session.shelf).card("pentacles-02") == "Two of Coins"
