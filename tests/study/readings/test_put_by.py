"""Readings put by beside the shelf: what was typed comes back as it was, whatever befell."""

from dataclasses import replace
from datetime import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.cards.spreads import SPREADS
from binder.cards.titles import STANDARD, TRADITIONS
from binder.errors import CanMend
from binder.study.readings import put_by
from binder.study.readings.draft import DeckChoice, Draft, new_draft

NOW = datetime(2026, 11, 25, 19, 30)
TODAY = NOW.date()
FRESH = new_draft(NOW, DeckChoice())
texts = st.text(st.characters(codec="utf-8"), max_size=40)
drafts = st.builds(
    Draft,
    at=st.just("2026-11-25T19:30"),
    question=texts,
    spread=st.sampled_from(SPREADS),
    line=texts,
    deck=st.builds(DeckChoice, texts, texts, st.sampled_from(TRADITIONS)),
    querent=texts,
    topic=texts,
    look_on=st.sampled_from(["", "2026-12-25"]),
    on_screen=st.booleans(),
)


@given(drafts)
def test_what_was_typed_comes_back_as_it_was(tmp_path_factory, draft):
    shelf = tmp_path_factory.getbasetemp()
    put_by.save(shelf, "new", draft, FRESH, TODAY)
    assert put_by.load(shelf, "new") == (draft, FRESH)


def test_nothing_put_by_nothing_found(tmp_path):
    assert put_by.load(tmp_path, "new") is None
    assert put_by.begun(tmp_path) == []
    put_by.drop(tmp_path, "new")


def test_what_was_put_by_is_told_of_and_dropped(tmp_path):
    put_by.save(tmp_path, "new", replace(FRESH, question="And now?"), FRESH, TODAY)
    put_by.save(tmp_path, "new 2026-12", replace(FRESH, question="Card?"), FRESH, TODAY)
    told = {one.key: one.question for one in put_by.begun(tmp_path)}
    assert told == {"new": "And now?", "new 2026-12": "Card?"}
    put_by.drop(tmp_path, "new")
    assert [one.key for one in put_by.begun(tmp_path)] == ["new 2026-12"]


def test_the_folder_is_for_the_users_own_eyes(tmp_path):
    put_by.save(tmp_path, "new", FRESH, FRESH, TODAY)
    assert (tmp_path / put_by.FOLDER).stat().st_mode & 0o077 == 0


@pytest.mark.parametrize("data", [b"", b"{", b"[]", b'{"draft": {}}', b"\xff\xfe", b'{"draft": 3}'])
def test_a_damaged_file_is_set_aside_and_said(tmp_path, data):
    put_by.save(tmp_path, "new", FRESH, FRESH, TODAY)
    file = tmp_path / put_by.FOLDER / "new.json"
    file.write_bytes(data)
    assert put_by.begun(tmp_path) == []
    with pytest.raises(CanMend, match=r"kept as “new\.damaged”"):
        put_by.load(tmp_path, "new")
    assert file.with_suffix(".damaged").read_bytes() == data
    assert put_by.load(tmp_path, "new") is None


def test_a_shelf_that_cannot_be_written_is_said(tmp_path):
    (tmp_path / put_by.FOLDER).write_text("a file in the way")
    with pytest.raises(CanMend, match="could not be"):
        put_by.save(tmp_path, "new", FRESH, FRESH, TODAY)
    assert put_by.begun(tmp_path) == []


def test_titles_of_a_deck_come_back(tmp_path):
    deck = DeckChoice("u", "Mine", replace(STANDARD, trumps=("Zéro", *STANDARD.trumps[1:])))
    put_by.save(tmp_path, "amend x", replace(FRESH, deck=deck), FRESH, TODAY)
    loaded = put_by.load(tmp_path, "amend x")
    assert loaded is not None
    assert loaded[0].deck == deck
