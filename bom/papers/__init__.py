"""Writing the workbook, the build sheet and the record; no arithmetic but sums."""
