"""A journey is made in the real window over the sample shelf."""

from tests.ui.conftest import look, program, sample_folder, window

__all__ = ["look", "program", "sample_folder", "window"]
