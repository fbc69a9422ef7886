-- Neovim 0.7 or newer as a client: opens the plan, edits it, asks for a hover and a layout, and writes down what it saw.
-- Run by run.mjs with PLAN, SERVER, SEEN, EDIT (a JSON list of line, from, to, text) and HOVER (line, character) set.

local function lines() return vim.api.nvim_buf_get_lines(0, 0, -1, false) end

vim.cmd('autocmd BufRead,BufNewFile *.liftplan setfiletype liftplan')

local published = 0
local publish = vim.lsp.handlers['textDocument/publishDiagnostics']
vim.lsp.handlers['textDocument/publishDiagnostics'] = function(...)
  publish(...)
  published = published + 1
end

local function start(buffer)
  local options = { name = 'becket', cmd = { 'node', vim.env.SERVER, '--stdio' }, root_dir = vim.fn.fnamemodify(vim.env.PLAN, ':h') }
  if vim.lsp.start then return vim.lsp.start(options) end
  local client = vim.lsp.start_client(options)
  vim.lsp.buf_attach_client(buffer, client)
  return client
end

vim.cmd('edit ' .. vim.fn.fnameescape(vim.env.PLAN))
local buffer = vim.api.nvim_get_current_buf()
local client = start(buffer)

local function wait(what, done)
  if not vim.wait(20000, done, 20) then error('waited in vain for ' .. what) end
end

local function findings()
  local found = {}
  for _, one in ipairs(vim.diagnostic.get(buffer)) do
    table.insert(found, { line = one.lnum, from = one.col, to = one.end_col, code = one.code, source = one.source })
  end
  return found
end

local function request(method, parameters)
  local answers = vim.lsp.buf_request_sync(buffer, method, parameters, 20000)
  local _, answer = next(answers or {})
  if not answer or answer.err then error(method .. ' ' .. vim.inspect(answer)) end
  return answer.result
end

local seen = { filetype = vim.bo.filetype }
wait('the first findings', function() return published > 0 end)
seen.before = findings()

local edit = vim.fn.json_decode(vim.env.EDIT)
local before = published
vim.api.nvim_buf_set_text(buffer, edit.line, edit.from, edit.line, edit.to, { edit.text })
wait('the findings after the edit', function() return published > before end)
seen.after = findings()

local document = { uri = vim.uri_from_bufnr(buffer) }
local hover = request('textDocument/hover', { textDocument = document, position = vim.fn.json_decode(vim.env.HOVER) })
seen.hover = type(hover) == 'table' and (hover.contents.value or hover.contents) or ''

local edits = request('textDocument/formatting', { textDocument = document, options = { tabSize = 2, insertSpaces = true } })
vim.lsp.util.apply_text_edits(edits or {}, buffer, 'utf-16')
seen.text = table.concat(lines(), '\n') .. '\n'

vim.fn.writefile({ vim.fn.json_encode(seen) }, vim.env.SEEN)
vim.lsp.stop_client(client)
vim.cmd('qall!')
