"""A spread as a file of its own, to be given to another student or kept beside the shelf."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any, NoReturn

from binder.cards.spreads import Spread
from binder.errors import CanMend
from binder.store.whole import write_whole
from binder.study.spreads.spread_checks import check

SUFFIX = ".spread.json"
KIND = "ringbound spread"
VERSION = 1
LARGEST = 256 * 1024
"""Bytes; 78 places with their questions take about a tenth of that."""

_WHOLE = {"kind", "version", "spread"}
_SPREAD = {"key", "name", "source", "places"}
_PLACE = {"n", "label", "asks", "x", "y", "rotation"}


def save(spread: Spread, path: Path) -> Path:
    """Write a spread to a file; returns its path, with our suffix if it had none."""
    full = path if path.name.endswith(".json") else path.with_name(path.name + SUFFIX)
    write_whole(written(spread).encode(), full, replace=full == path)
    return full


def written(spread: Spread) -> str:
    """The text of the file: JSON, readable by eye."""
    whole = {"kind": KIND, "version": VERSION, "spread": spread.to_dict()}
    return json.dumps(whole, ensure_ascii=False, indent=1) + "\n"


def opened(path: Path) -> Spread:
    """The spread in a file; CanMend says in one sentence why a file is none."""
    try:
        with path.open("rb") as file:
            data = file.read(LARGEST + 1)
    except OSError as error:
        raise CanMend(f"“{path.name}” could not be read ({error.strerror}).") from error
    if len(data) > LARGEST:
        raise CanMend(f"“{path.name}” is far too large for a spread, so it was not opened.")
    try:
        return _spread(_values(data))
    except CanMend as error:
        raise CanMend(f"“{path.name}” was not opened: {error}") from error


def _values(data: bytes) -> Any:
    try:
        return json.loads(data, parse_constant=_no_number, object_pairs_hook=_once)
    except (ValueError, RecursionError) as error:
        raise CanMend("it is no spread saved by Ringbound, or it was cut short.") from error


def _no_number(name: str) -> NoReturn:
    raise ValueError(name)


def _once(pairs: Iterable[tuple[str, Any]]) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for name, value in pairs:
        if name in found:
            raise ValueError(name)
        found[name] = value
    return found


def _spread(whole: Any) -> Spread:
    if not isinstance(whole, dict) or whole.get("kind") != KIND:
        raise CanMend("it is no spread saved by Ringbound.")
    if whole.get("version") != VERSION:
        raise CanMend("it was saved by a newer Ringbound; update the program to open it.")
    _only(whole, _WHOLE)
    values = whole.get("spread")
    if not isinstance(values, dict):
        raise CanMend("there is no spread in it.")
    _only(values, _SPREAD)
    places = values.get("places")
    for place in places if isinstance(places, list) else ():
        if isinstance(place, dict):
            _only(place, _PLACE)
            _text(place, "asks")
    _text(values, "source")
    return check(Spread.from_dict(values))


def _only(values: Mapping[str, Any], known: set[str]) -> None:
    odd = next((name for name in values if name not in known), None)
    if odd is not None:
        shown = " ".join(odd.split())[:30]
        raise CanMend(f"it holds “{shown}”, which has no business in a spread.")


def _text(values: Mapping[str, Any], name: str) -> None:
    if not isinstance(values.get(name, ""), str):
        raise CanMend(f"what it says under “{name}” is to be plain words.")
