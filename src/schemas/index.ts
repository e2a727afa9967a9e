/** The schemas for editors: what they are, where they lie, and the line by which an editor finds them. */
export { isSchemaOf, type SchemaKind, schemaFile, schemaKinds, schemaText } from "./kinds.ts";
export { namedSchema, schemaLine, withSchema } from "./line.ts";
export { askPlaceAgain, leadsNowhere, schemaPlace } from "./place.ts";
