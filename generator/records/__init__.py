"""What went out and what became of it. In: a checked folder with its ledger. Out: what to tell, events to append."""
