export {
  procedureFor,
  procedureKinds,
  type Procedure,
  type ProcedureKind,
  type SourcedLine,
} from "./procedure.ts";
