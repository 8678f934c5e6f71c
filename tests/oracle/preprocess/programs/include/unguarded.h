unguarded text __LINE__
