"""Where the picture of one group of statements is found, for links from any leaf."""

from binder.page.address import Scheme
from binder.study.overview.came import By

MARK = "|"
"""Stands between the kind of group and the group in an address."""


def group_address(by: By, key: str) -> str:
    """The address of how sure, how often, for one group."""
    return Scheme.SURE.to(f"{by}{MARK}{key}")
