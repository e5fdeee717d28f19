"""Places in a source: pages as they are printed, anything else as it was written."""

from __future__ import annotations

import re

_ANCHOR = re.compile(r"([A-Za-z]+)(\d.*)")


def cited_at(locator: str) -> str:
    """'p. 112' or 'pp. 204–205' for a page or pages; any other place as it was written."""
    clean = locator.strip()
    parts = clean.replace("–", "-").split("-")
    if not all(part.strip().isdigit() for part in parts):
        return clean
    pages = "–".join(part.strip() for part in parts)
    return f"{'pp.' if len(parts) > 1 else 'p.'} {pages}"


def of_anchor(anchor: str) -> str:
    """What the end of a link shortens: 'p112' is p. 112, 'note4' note 4."""
    found = _ANCHOR.fullmatch(anchor)
    if not found:
        return anchor
    stop = "." if found[1] in ("p", "pp") else ""
    return f"{found[1]}{stop} {found[2].replace('-', '–')}"
