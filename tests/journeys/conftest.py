"""A journey is made in the real window over the sample shelf."""

import pytest

from tests.ui.conftest import deleted, look, program, sample_folder, window
from tests.ui.garbage import nothing_left_to_the_collector

__all__ = ["deleted", "look", "program", "sample_folder", "window"]


@pytest.fixture(autouse=True)
def _nothing_left():
    """What a journey drops is Qt's to destroy."""
    with nothing_left_to_the_collector():
        yield
