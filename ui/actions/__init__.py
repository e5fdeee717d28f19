"""What every menu line does, and what is dropped, followed or chosen on the desk."""
