package easewright.reply;

/**
 * Who a reply is for.
 *
 * @param nickname what she is called; null where it is not known
 * @param plain whether to leave out thanks and praise
 * @param opening a line of the teacher's own after the greeting, or null
 * @param closing a line of her own at the end, or null
 */
public record Addressee(String nickname, boolean plain, String opening, String closing) {}
