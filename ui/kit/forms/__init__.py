"""Fields, hints and small dialogs."""
