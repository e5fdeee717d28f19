"""Places in a source: pages as they are printed, anything else as it was written."""

from __future__ import annotations


def cited_at(locator: str) -> str:
    """'p. 112' or 'pp. 204–205' for a page or pages; any other place as it was written."""
    clean = locator.strip()
    parts = clean.replace("–", "-").split("-")
    if not all(part.strip().isdigit() for part in parts):
        return clean
    pages = "–".join(part.strip() for part in parts)
    return f"{'pp.' if len(parts) > 1 else 'p.'} {pages}"
