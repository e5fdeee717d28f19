"""The uids of what a text shelf holds: the same at every build."""

from uuid import NAMESPACE_URL, uuid5


def uid_for(name: str) -> str:
    """The uid of a thing of a text shelf: a leaf by its name, a deck as 'deck/KEY'."""
    return str(uuid5(NAMESPACE_URL, f"ringbound:{name}"))
