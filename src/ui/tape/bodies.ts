/** What Tape says by the body model. It is loaded after the fields, which can be filled in without it. */
export { estimatesOf } from "../../core/bodies/estimate";
export { suspicionsOf } from "../../core/bodies/suspicion";
export { WhoseBodies } from "./WhoseBodies";
