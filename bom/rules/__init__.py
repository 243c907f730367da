"""One rule a file; bom.judge.rule finds them all."""
