"""A journey is made in the real window over the sample shelf."""

from tests.ui.conftest import (
    _collected,
    _no_rubbish_meanwhile,
    look,
    program,
    sample_folder,
    window,
)

__all__ = ["_collected", "_no_rubbish_meanwhile", "look", "program", "sample_folder", "window"]
