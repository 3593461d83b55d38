"""A recipe's view in, text for a terminal out: the docket, the formula sheet, what helps at the bench."""
