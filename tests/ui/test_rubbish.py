"""Rubbish is collected on the window's thread alone, at quiet moments."""

import gc
import weakref

from ui import rubbish


class Knot:
    """Something that only the collector can free."""

    def __init__(self):
        self.self = self


def knots(count):
    made = [Knot() for _ in range(count)]
    return [weakref.ref(one) for one in made]


def test_nothing_is_collected_meanwhile_and_all_at_the_next_look():
    gc.collect()
    left = knots(5000)
    assert all(one() is not None for one in left)
    rubbish.collect()
    assert all(one() is None for one in left)


def test_a_little_is_left_for_later():
    gc.collect()
    left = knots(5)
    rubbish.collect()
    assert left[0]() is not None
    gc.collect()


def test_the_program_looks_from_time_to_time(qapp, qtbot, monkeypatch):
    monkeypatch.setattr(rubbish, "EVERY_MS", 20)
    watch = rubbish.Rubbish()
    gc.collect()
    left = knots(5000)
    qtbot.waitUntil(lambda: left[0]() is None, timeout=3000)
    assert not gc.isenabled()
    watch.deleteLater()
