"""What the session keeps of the binders between changes is never out of date."""

from binder.store.file import open_file
from binder.study.leaves import leaves, tabs
from ui.session.trail import Show, Spot


def test_a_leaf_is_read_again_after_a_change(session):
    binder, uid = session.shelf.card_leaf("major-17")
    spot = session.spot_of(uid)
    assert session.leaf_of(spot) is session.leaf_of(spot)
    leaves.rename(binder, uid, "The Brightest Star")
    assert session.leaf_of(spot).title == "The Brightest Star"
    binder.gate.undo()
    assert session.leaf_of(spot).title == "The Star"


def test_listeners_already_see_the_change(session):
    binder, uid = session.shelf.card_leaf("major-17")
    spot, seen = session.spot_of(uid), []
    session.leaf_of(spot)
    session.changed.connect(lambda _notice: seen.append(session.leaf_of(spot).title))
    leaves.rename(binder, uid, "The Brightest Star")
    assert seen == ["The Brightest Star"]


def test_what_another_window_wrote_is_seen(session):
    binder, uid = session.shelf.card_leaf("major-17")
    spot = session.spot_of(uid)
    session.leaf_of(spot)
    session.look_outside()
    other = open_file(binder.path)
    leaves.rename(other, uid, "From elsewhere")
    other.close()
    session.look_outside()
    assert session.leaf_of(spot).title == "From elsewhere"


def test_a_leaf_that_is_gone_and_a_binder_taken_off(session):
    assert session.leaf_of(Spot(Show.LEAF, session.shelf.binders[0].uid, "", "gone")) is None
    binder, uid = session.shelf.card_leaf("major-17")
    spot = session.spot_of(uid)
    session.leaf_of(spot)
    session.shelf.remove(binder)
    assert session.leaf_of(spot) is None
    assert session.spot_of(uid) is None


def test_tabs_are_read_again_after_a_change(session):
    practice = session.shelf.binder("Practice")
    uid = tabs.add_tab(practice, "Dreams")
    spot = Spot(Show.CONTENTS, practice.uid, uid)
    assert session.tab_of(spot).name == "Dreams"
    tabs.rename_tab(practice, uid, "Nights")
    assert session.tab_of(spot).name == "Nights"


def test_it_never_keeps_much(session):
    for number in range(500):
        session.kept(("number", number), lambda number=number: number)
    assert session.kept(("number", 499), lambda: None) == 499
    assert all(session.kept(("number", old), lambda: "again") == "again" for old in range(50))
