"""What an organ is."""
