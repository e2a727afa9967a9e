// A first look: sets up what is missing, then shows the example farm.
import "./setup.mjs";
import "./demo/show.mjs";
