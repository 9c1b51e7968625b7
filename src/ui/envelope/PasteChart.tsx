export function PasteChart(){return null}
