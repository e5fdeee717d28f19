"""What SQLite says goes wrong, as one sentence."""

import pytest
from peewee import OperationalError

from binder.errors import CanMend, OwnFault
from binder.store.sentences import spoken


def test_a_step_that_filled_the_disk_and_was_taken_back_already_is_a_full_disk(tmp_path):
    def fill():
        try:
            raise OperationalError("database or disk is full")
        finally:
            raise OperationalError("cannot rollback - no transaction is active")

    with (
        pytest.raises(CanMend, match="The disk is full, so “Practice"),
        spoken(tmp_path / "Practice.ringbound"),
    ):
        fill()


def test_what_is_unknown_is_a_fault_of_ours(tmp_path):
    with pytest.raises(OwnFault, match="no such table"), spoken(tmp_path / "a.ringbound"):
        raise OperationalError("no such table: x")
