#!/usr/bin/env node
/** The program as it is shipped. */
import { runProgram } from './entry.ts';

await runProgram();
