"""What is played, when, and by whom."""
