"""The colours of print."""

import tomllib
from collections.abc import Mapping
from functools import lru_cache

from binder.resources import resource


@lru_cache(maxsize=1)
def print_colours() -> Mapping[str, str]:
    """The day theme's colours on white paper."""
    read = tomllib.loads(resource("palette.toml").read_text(encoding="utf-8"))
    colours: dict[str, str] = dict(read["day"]["colours"])
    return colours | {"paper": "#FFFFFF"}
