"""What leaves and dialogs are built from."""
