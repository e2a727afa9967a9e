#!/usr/bin/env node
require("./load-program").loadProgram();
