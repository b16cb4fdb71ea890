package easewright.plan;

import easewright.pattern.Piece;

/**
 * A piece in the size it is cut.
 *
 * @param piece the piece
 * @param size the size's name
 * @param box its bounding box after all changes; null if the sheet gives none
 */
record SizedPiece(Piece piece, String size, Piece.Box box) {}
