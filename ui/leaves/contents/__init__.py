"""Contents leaves and plain leaves."""
