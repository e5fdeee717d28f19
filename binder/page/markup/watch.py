"""The time that rendering one leaf may take."""

import time
from collections.abc import Callable
from typing import Any

AT_LEAST = 0.5
"""Seconds that any leaf may take, however short."""

A_CHARACTER = 8e-6
"""Seconds more for each character of a leaf."""


class TooTangled(Exception):
    """The leaf took far longer than its length allows; it is shown as it was typed instead."""


class Watch:
    """The time one leaf may take; asked at every step that could be one of very many."""

    def __init__(self) -> None:
        self.until = 0.0

    def start(self, length: int) -> None:
        """Allow for a leaf of so many characters, many times what an honest one needs.

        Only the time this thread works is counted, so a busy machine changes nothing.
        """
        self.until = time.thread_time() + AT_LEAST + length * A_CHARACTER

    def check(self) -> None:
        """Raise TooTangled once the time is up."""
        if time.thread_time() > self.until:
            raise TooTangled

    def over(self, work: Callable[..., Any]) -> Callable[..., Any]:
        """The same work, checked before each call."""

        def checked(*arguments: Any) -> Any:
            self.check()
            return work(*arguments)

        return checked
