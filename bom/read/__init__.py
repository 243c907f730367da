"""Reading files: the job, the catalogue, and every fault in them."""
