"""What a find comes upon, for tests of what leaves hold."""

from binder.store.shelf import Shelf
from binder.study.overview.finding import find_all


def uids_found(shelf: Shelf, words: str) -> list[str]:
    """Uids of the leaves found, best first."""
    return [hit.uid for group in find_all(shelf, words).groups for hit in group.hits]
