"""The register of decks."""
