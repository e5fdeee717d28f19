"""Pictures of how statements came out."""
