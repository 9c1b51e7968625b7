/** The words of the page around its steps: its head, the thread, the ways to pieces and ledger, its fields, and what is said where a part of it fails. */
import type { LengthUnit } from "../core/decisions/work";

export const bodicewright = "Bodicewright";

// App
export const skip = "Skip to the work";
export const privacy = "Your measures stay in this browser. Nothing is sent anywhere.";
export const onTo = (step: string): string => `On to ${step}`;
export const tablePlace = "Table with the pattern pieces";
export const ledgerPlace = "Ledger of alterations and checks";
export const openLedger = "Open the ledger";
export const closeLedger = "Close the ledger";
export const close = "Close";
export const printedTooSoon =
  "The sheet was not loaded yet, so it could not be printed. Print again once it stands here on the page.";

/** The parts of the page as they are named where one fails. */
export const PARTS = {
  steps: "The list of steps",
  phoneBar: "The way to pieces and ledger",
  messages: "What the page has to say",
  table: "The table",
  ledger: "The ledger",
  workName: "The name of this work",
  works: "The list of works",
  storage: "Whether your work is saved",
  unit: "The choice of the unit",
} as const;

// Head
export const nameOfWork = "Name of this work";
export const unit = "Unit";

// Thread
export const steps = "Steps of the work";
export const stepTitles = {
  tape: "Tape",
  envelope: "Envelope",
  tissue: "Tissue",
  blend: "Blend",
  darts: "Darts",
  fit: "Fit",
  trial: "Trial",
  dress: "Dress",
  paper: "Paper",
} as const;
export const stepAbout = {
  tape: "your measures",
  envelope: "the pattern’s chart",
  tissue: "your own pattern",
  blend: "your size",
  darts: "move and shape",
  fit: "what the body shows",
  trial: "what the toile shows",
  dress: "skirt, lining, cloth",
  paper: "print and cut",
} as const;

// UndoRedo
export const undoAndRedo = "Undo and redo";
export const undo = "Undo";
export const undoKeys = "Undo (Ctrl+Z)";
export const redo = "Redo";
export const redoKeys = "Redo (Ctrl+Shift+Z)";

// PhoneBar
export const phoneBar = "Undo, pieces and ledger";
export const showPieces = "Show the pieces";
export const putPiecesAway = "Put the pieces away";
export const pieces = "Pieces";
export const fillWithPieces = "Pieces on the full screen";
export const leaveFull = "Leave the full screen";
export const full = "Full";
export const leave = "Leave";
export const toLedger = "Ledger";
export const backToStep = "Back to the step";
export const step = "Step";

// Messages
export const later = "Later";
export const dismiss = "Dismiss";

// PageBoundary, PageFaults
export const pageFailed = "The page cannot be shown: something in it went wrong.";
export const pageFailedRemedy =
  "Your work is kept. Load the page again; if that does not help, download your work, so that you have it safe.";
export const somethingFailed = "Something in the page went wrong just now.";
export const somethingFailedRemedy = "Your work is kept. If the page does not do what it should, load it again.";
export const loadAgain = "Load the page again";
export const downloadWork = "Download this work";

// PartBoundary, PartPlace
export const partFailed = (part: string): string => `${part} cannot be shown: something in it went wrong.`;
export const workIsKept = "Your work is kept.";
export const partFailedRemedy =
  "Your work is kept, and the rest of the page works. If it does not help to try again, undo what you did last.";
export const partNotLoaded = (part: string): string => `${part} could not be loaded.`;
export const trying = "Trying…";
export const tryAgain = "Try again";
export const loadWholeAgain = "Load the whole page again";
export const oneMoment = "One moment…";

// fields
export const keysOfField = "Keys for this field";
export const otherSign = "Other sign";
/** Of what could be taken by now, and was not when it was typed. */
export const notTaken = "This is not taken yet. Enter takes it.";
/** What counts while what was typed cannot be read. */
export const untilThen = (entry: string, of: LengthUnit): string => ` Until then ${entry} ${of} counts.`;
/** The unit that small amounts are entered in. */
export const amountUnit = (of: LengthUnit): string => (of === "cm" ? "mm" : "in");
