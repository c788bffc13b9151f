/**
 * Records as loggers write them: text of any layout, workbooks, MATLAB files. Input: a file. Output: its samples in SI,
 * or what is wrong with it and where. Read {@link io.burnlaw.trace.reading.TraceReader} first.
 */
package io.burnlaw.trace.reading;
