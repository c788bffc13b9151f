package io.burnlaw.campaign;

/**
 * A file that was read, so that a result can be traced to it.
 *
 * @param path   below the campaign folder, with {@code /}
 * @param sha256 of its bytes, in hexadecimal
 * @param bytes  its size
 */
public record InputFile(String path, String sha256, long bytes) {}
