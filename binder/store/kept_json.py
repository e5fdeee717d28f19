"""JSON that a row keeps, read as far as it can be: what is damaged is told by `check`."""

from __future__ import annotations

import json
from typing import Any


def mapping(text: object) -> dict[str, Any]:
    """An object's fields; {} for anything else."""
    found = _read(text)
    return found if isinstance(found, dict) else {}


def listed(text: object) -> list[Any]:
    """A list; [] for anything else."""
    found = _read(text)
    return found if isinstance(found, list) else []


def _read(text: object) -> Any:
    try:
        return json.loads(str(text)) if text else None
    except (ValueError, RecursionError):
        return None
