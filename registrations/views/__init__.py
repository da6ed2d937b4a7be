"""The pages of registrations: the week, the editor, the console, the cards, the rules."""
