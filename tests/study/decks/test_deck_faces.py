"""Pictures of a deck's cards kept in a binder."""

from binder.store.schema import DeckFace
from binder.study.decks.deck_faces import all_faces, faces, set_faces


def test_pictures_are_put_on_cards_and_taken_away(course_shelf):
    binder = course_shelf.binder("Practice")
    set_faces(course_shelf, binder, "deck", {"major-17": "file-1", "cups-02": "file-2"})
    set_faces(course_shelf, binder, "deck", {"major-17": "file-3", "cups-02": ""})
    set_faces(course_shelf, binder, "other", {"major-17": "file-4"})
    assert faces(course_shelf, "deck") == {"major-17": "file-3"}
    assert all_faces(course_shelf) == {
        ("deck", "major-17"): "file-3", ("other", "major-17"): "file-4",
    }  # fmt: skip


def test_one_step_is_undone_as_one(course_shelf):
    binder = course_shelf.binder("Practice")
    set_faces(course_shelf, binder, "deck", {"major-17": "file-1", "cups-02": "file-2"})
    set_faces(course_shelf, binder, "deck", {"major-17": "", "cups-02": "file-3"})
    binder.gate.undo()
    assert faces(course_shelf, "deck") == {"major-17": "file-1", "cups-02": "file-2"}


def test_the_latest_picture_counts_in_whatever_binder(course_shelf):
    first, second = course_shelf.binder("Foundations"), course_shelf.binder("Practice")
    set_faces(course_shelf, first, "deck", {"major-17": "file-1"})
    set_faces(course_shelf, second, "deck", {"major-17": "file-2"})
    assert faces(course_shelf, "deck") == {"major-17": "file-2"}
    set_faces(course_shelf, first, "deck", {"major-17": ""})
    assert faces(course_shelf, "deck") == {}
    assert all_faces(course_shelf) == {}
    first.gate.undo()
    assert faces(course_shelf, "deck") == {"major-17": "file-2"}


def test_what_stays_as_it_was_is_not_written(course_shelf):
    binder = course_shelf.binder("Practice")
    set_faces(course_shelf, binder, "deck", {"major-17": "file-1", "cups-02": ""})
    assert len(binder.all(DeckFace.select())) == 1
    told = []
    binder.listen(told.append)
    set_faces(course_shelf, binder, "deck", {"major-17": "file-1"})
    assert not told[0].rows
