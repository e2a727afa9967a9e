// A thread of `carcase lint`, started by the program itself.
require("./load-program").loadProgram("lint-thread.cjs");
