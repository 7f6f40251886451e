/** The records of all plates for spreadsheets. */
import type { APIRoute } from 'astro';
import { plateRows } from '../components/exhibit-documents.ts';
import { csvTable } from '../publish/plate-table.ts';

export const GET: APIRoute = async () =>
  new Response(csvTable(await plateRows()), {
    headers: { 'content-type': 'text/csv; charset=utf-8' },
  });
