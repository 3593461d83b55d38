"""What changed and what went out. In: formulas with their corrections. Out: numbered, dated revisions."""
