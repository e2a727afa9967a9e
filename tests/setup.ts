/** Before every test file. */
import { setUpRandomTests } from "./random.ts";

setUpRandomTests();
