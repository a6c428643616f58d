"""The kinds of question without numbers, a module each: choose, order, locate."""
