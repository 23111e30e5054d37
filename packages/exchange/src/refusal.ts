/** Why a drawing gives no outline, and what to do: sentences without their full stops. */
export interface OutlineRefusal {
  readonly refused: string;
  readonly instead: string;
}
