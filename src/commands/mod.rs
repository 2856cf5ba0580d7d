//! One file a command; each calls the stages and says what came of it.
