/** An import from files, as the command runs it: register and mapping read, the report told. */
import { readFile } from 'node:fs/promises';
import { mappingSchema } from '../../records/register/mapping.ts';
import { readYaml } from '../../records/yaml-door.ts';
import { formatFindings } from '../format-findings.ts';
import { WrongUse } from '../wrong-use.ts';
import { importRegister } from './import-register.ts';
import { registerReportText } from './register-report.ts';

export interface RegisterFiles {
  readonly register: string;
  readonly mapping: string;
  readonly content: string;
  readonly dryRun: boolean;
  readonly quiet: boolean;
}

async function readUtf8(file: string): Promise<string> {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(await readFile(file));
  } catch (error) {
    throw new WrongUse(`${file} cannot be read as UTF-8: ${(error as Error).message}`);
  }
}

/** 0 when every row came in, 1 when one was refused, 2 when the mapping cannot be used. */
export async function importRegisterFiles(files: RegisterFiles): Promise<number> {
  const source = { plate: '', file: files.mapping, text: await readUtf8(files.mapping) };
  const read = readYaml(source, mappingSchema);
  if (!read.ok) {
    console.error(formatFindings([...read.findings]));
    return 2;
  }
  const { content, dryRun, quiet } = files;
  const text = await readUtf8(files.register);
  const report = await importRegister({ text, mapping: read.value, content, dryRun });
  if (!quiet) console.log(registerReportText(report, dryRun));
  return report.refused.length > 0 || report.absent.length > 0 ? 1 : 0;
}
